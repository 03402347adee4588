const SCHEMES = ['https:', 'http:', 'mailto:'] as const;

/**
 * What a link begins with, where that is no page of this site and no scheme that a link may have: `javascript:`, `//`.
 * Browsers pass over blanks and control characters before and within a scheme, and take `\` for `/`.
 */
export function refusedStart(link: string): string | undefined {
  const bare = link.replace(/[\p{Cc}\p{Cf}\p{Z}]/gu, '').replaceAll('\\', '/');
  if (bare.startsWith('//')) return '//';
  const scheme = /^[^/?#]*?:/.exec(bare)?.[0].toLowerCase();
  return scheme === undefined || SCHEMES.some((known) => known === scheme) ? undefined : scheme;
}
