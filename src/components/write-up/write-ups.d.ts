/** Write-ups as components, by the path under which they are published; made by `src/commands/write-ups.ts`. */
declare module 'virtual:write-ups' {
  export const writeUps: Readonly<
    Record<string, () => Promise<{ readonly Content: import('astro/runtime/server/index.js').AstroComponentFactory }>>
  >;
}
