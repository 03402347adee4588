import { expect, it } from 'vitest';
import { refuseCode } from '../../src/commands/refuse-code.ts';

/** As the bundler calls it, on the text of a write-up of the committed project. */
async function transform(text: string): Promise<unknown> {
  const { transform } = refuseCode() as { transform: { handler(text: string, id: string): Promise<unknown> } };
  return transform.handler(text, '/content/reports/a.mdx');
}

it('lets a write-up without code pass as it is, and refuses one with code before it becomes a program', async () => {
  expect(await transform('---\ntitle: A\n---\n\nA <Figure id="total/a" />.')).toBe(undefined);
  await expect(transform('Text.\n\nexport const Figure = 1')).rejects.toThrow(
    '/content/reports/a.mdx:3:1  "export const Figure = 1" is code, and a write-up holds none.',
  );
});
