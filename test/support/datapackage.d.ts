/** What tests use of it: the package has no types of its own. */
declare module 'datapackage' {
  interface Resource {
    readonly name: string;
    read(options: { keyed: true; relations?: boolean }): Promise<readonly Record<string, unknown>[]>;
  }
  export class Package {
    static load(descriptor: string, options?: { strict?: boolean }): Promise<Package>;
    readonly errors: readonly Error[];
    readonly resourceNames: readonly string[];
    readonly resources: readonly Resource[];
  }
}
