import type { Bench } from '../../model/bench.ts';
import { parseRate, rateKey } from '../../model/rate.ts';

/** Rates that this bench sets or runs at are settings, whoever types them. */
export function settingRates({ settings, displays, rigs }: Bench): (written: string) => boolean {
  const rates = [
    ...settings
      .filter(({ kind }) => kind === 'rate')
      .flatMap(({ levels }) => levels.flatMap(({ id }) => parseRate(id) ?? [])),
    ...displays.map(({ refresh }) => refresh),
    ...rigs.flatMap(({ sourceTimer, observer }) => [sourceTimer?.refresh ?? [], observer?.rate ?? []].flat()),
  ];
  const keys = new Set(rates.map(rateKey));
  return (written) => {
    const rate = parseRate(written);
    return rate !== undefined && keys.has(rateKey(rate));
  };
}
