import type { Register } from './register.ts';

/** The register as commands print it, each figure with all that is its own: indented JSON with a final newline. */
export function renderRegister({ analysis, figures, findings }: Register): string {
  const stated = { analysis, figures, findings };
  return `${JSON.stringify(stated, (key, value: unknown) => (key === 'own' ? undefined : value), 2)}\n`;
}
