import { z } from 'zod';
import { parsed, text } from '../fields.ts';
import { present } from '../present.ts';
import { parseSpeed } from '../quantities.ts';

const ID = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;
/** What the tool has from published sources. */
const TAKEN = ['walking', 'sprinting', 'falling', 'sound'];

const speed = z
  .strictObject({
    name: text,
    speed: parsed('bad-speed', (stated) => {
      const metresPerSecond = parseSpeed(stated);
      return metresPerSecond === undefined ? undefined : { stated: stated.trim(), metresPerSecond };
    }),
    source: text.optional(),
  })
  .transform(({ name, speed: { stated, metresPerSecond }, source }) =>
    present({ name, stated, metresPerSecond, source }),
  );

/** `data/speeds.yaml`: speeds of the publication's own, by what they are called in ids. */
export const speedsSchema = z.record(z.string(), speed).transform((byId, context) => {
  for (const id of Object.keys(byId))
    if (!ID.test(id) || TAKEN.includes(id))
      context.addIssue({ code: 'custom', path: [id], params: { problem: 'bad-speed-name' } });
  return Object.entries(byId).map(([id, stated]) => ({ id, ...stated }));
});
