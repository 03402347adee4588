/** The splitter of front matter keeps a copy of its text as a Buffer, which browsers lack and nobody asks for. */
const scope = globalThis as { Buffer?: unknown };
scope.Buffer ??= { from: (text: unknown) => text };
export {};
