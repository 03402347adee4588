import { z } from 'zod';
import { flag, parsed, text } from '../fields.ts';
import { FIRST_FORMAT } from '../formats.ts';
import { present } from '../present.ts';
import { languageTag, licence, publicationIdentifier, siteAddress } from './site-fields.ts';

/** Front matter of `content/site.md`. */
export const siteSchema = z
  .strictObject({
    title: text,
    tagline: text,
    publisher: text,
    format: parsed('bad-format', (value) => (/^[1-9]\d{0,3}$/.test(value) ? Number(value) : undefined)).optional(),
    'write-ups-run-code': flag,
    documentation: flag,
    licence: licence.optional(),
    address: siteAddress.optional(),
    language: languageTag.optional(),
    identifier: publicationIdentifier.optional(),
  })
  .transform(
    ({ 'write-ups-run-code': writeUpsRunCode = false, documentation = true, format = FIRST_FORMAT, ...rest }) =>
      present({ ...rest, writeUpsRunCode, documentation, format }),
  );
