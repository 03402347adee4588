/** Text in XML and HTML, between tags and in attributes. */
export function escapeMarkup(text: string): string {
  return text.replace(/[&<>"]/g, (character) => `&#${String(character.charCodeAt(0))};`);
}

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Named and numbered references as the characters they stand for. */
export function readMarkup(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (all, hex?: string, decimal?: string, name?: string) =>
    hex !== undefined
      ? String.fromCodePoint(Number.parseInt(hex, 16))
      : decimal !== undefined
        ? String.fromCodePoint(Number(decimal))
        : (NAMED[name ?? ''] ?? all),
  );
}
