/** Types that pages and an author's editor take from the definitions of parts. */
declare namespace App {
  interface Locals {
    /** By what charts and tables of this page are cited, and the places of its tables so far; set by its layout. */
    cited?: {
      readonly publication: import('../../views/cite-line.ts').CitedPublication;
      readonly page: string;
      readonly tables: Map<string, number>;
    };
    /** From what the parts of the write-up on this page are answered; set by the page that draws it. */
    writeUp?: {
      readonly answers: import('../../write-ups/answers.ts').Answers;
      readonly illustrations: readonly import('../../model/illustration.ts').Illustration[];
      /** Only where the write-up runs code, which may ask for what nobody knew before. */
      readonly answering?: import('../../write-ups/parts/definition.ts').Answering | undefined;
    };
  }
}

/** What MDX may use without an import, by name, for editors that check MDX. */
type MDXProvidedComponents = {
  readonly [Name in keyof import('../../write-ups/parts.ts').PropsByPart]: (
    props: import('../../write-ups/parts.ts').PropsByPart[Name] & { readonly children?: unknown },
  ) => unknown;
};
