import { SCHEMA_FILE } from './register-schema.ts';
import type { Register } from './register.ts';

/** The register as published and as printed by the command: indented JSON with a final newline, naming its schema. */
export function renderRegister({ analysis, figures, findings }: Register): string {
  const stated = { $schema: SCHEMA_FILE, analysis, figures, findings };
  return `${JSON.stringify(stated, (key, value: unknown) => (key === 'own' ? undefined : value), 2)}\n`;
}
