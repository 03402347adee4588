import { z } from 'zod';
import { flag, text } from '../fields.ts';
import { present } from '../present.ts';
import { languageTag, licence, publicationIdentifier, siteAddress } from './site-fields.ts';

/** Front matter of `content/site.md`. */
export const siteSchema = z
  .strictObject({
    title: text,
    tagline: text,
    publisher: text,
    'write-ups-run-code': flag,
    documentation: flag,
    licence: licence.optional(),
    address: siteAddress.optional(),
    language: languageTag.optional(),
    identifier: publicationIdentifier.optional(),
  })
  .transform(({ 'write-ups-run-code': writeUpsRunCode = false, documentation = true, ...rest }) =>
    present({ ...rest, writeUpsRunCode, documentation }),
  );
