import type { Register } from './register.ts';

/** The register as published and as printed by the command: indented JSON with a final newline. */
export function renderRegister(register: Register): string {
  return `${JSON.stringify(register, (key, value: unknown) => (key === 'own' ? undefined : value), 2)}\n`;
}
