import { PATHS } from '../register/paths.ts';
import { describeProvenance } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';
import { loadSite } from 'lagfolio/site';
import { readClaim } from '../write-ups/claims/claim.ts';
import { describeAssertions } from '../write-ups/claims/describe.ts';
import { targetOf } from '../write-ups/claims/target.ts';

/** As the part is written; what may stand in each is checked before pages are drawn. */
export type ClaimProps = Readonly<Record<string, unknown>>;

/** The figure that a claim of the write-up at this site path rests on, and what was checked, in words. */
export async function requireClaim(path: string, props: ClaimProps): Promise<{ figure: Figure; title: string }> {
  const { register } = await loadSite();
  const claim = readClaim({
    attributes: Object.fromEntries(Object.entries(props).map(([name, value]) => [name, { known: true, value }])),
  });
  const [folder, id = ''] = path.split('/').filter(Boolean);
  const figure =
    claim &&
    targetOf(
      claim,
      `/${folder ?? ''}/` === PATHS.method ? 'method' : 'reports',
      id,
      new Map(register.figures.map((each) => [each.id, each])),
    );
  if (claim === undefined || figure === undefined)
    throw new Error(
      `the claim ${JSON.stringify(props)} was not checked: its properties must be written out as plain values`,
    );
  return {
    figure,
    title: `Checked against the data: ${describeAssertions(claim)}. ${figure.text}. ${describeProvenance(figure)}`,
  };
}
