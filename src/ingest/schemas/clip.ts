import { z } from 'zod';
import { parsed, text } from '../fields.ts';
import { present } from '../present.ts';
import { languageTag } from './site-fields.ts';

/** `pan.mp4.yaml`: what stands beside a clip. */
export const clipSchema = z
  .strictObject({
    poster: text,
    captions: text.optional(),
    language: languageTag.optional(),
    'in-words': text.optional(),
    flashes: parsed('bad-flag', (value) => (value === 'true' ? true : value === 'false' ? false : undefined)),
  })
  .transform(({ 'in-words': inWords, ...said }) => present({ ...said, inWords }));
