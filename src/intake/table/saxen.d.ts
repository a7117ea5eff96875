/** The part of the XML parser saxen that is used; the package has no types of its own. */
declare module 'saxen' {
  export class Parser {
    on(
      name: 'openTag',
      take: (name: string, attributes: () => Record<string, string>) => void,
    ): this;
    on(name: 'closeTag', take: (name: string) => void): this;
    on(name: 'text', take: (text: string, decode: (text: string) => string) => void): this;
    on(name: 'cdata', take: (text: string) => void): this;
    on(name: 'error' | 'warn', take: (wrong: Error) => void): this;
    parse(text: string): void;
  }
}
