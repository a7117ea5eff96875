import { Parser } from 'saxen';

/** An element of an XML file: its attributes with `@`, its text, its parts by name. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
  readonly parts: XmlElement[];
}

/**
 * The tree of an XML text, names without their prefixes; undefined where it is not well formed or
 * was cut off. Entities that the text itself defines are never put in.
 */
export function xmlTree(text: string): XmlElement | undefined {
  const top: XmlElement = { name: '', attributes: {}, text: '', parts: [] };
  const open: XmlElement[] = [top];
  let isWrong = false;
  const parser = new Parser();
  parser
    .on('openTag', (name, attributes) => {
      const element = { name: plain(name), attributes: attributes(), text: '', parts: [] };
      open.at(-1)?.parts.push(element);
      open.push(element);
      if (open.length > DEEPEST) isWrong = true;
    })
    .on('closeTag', () => {
      open.pop();
    })
    .on('text', (words, decode) => add(decode(words)))
    .on('cdata', (words) => add(words))
    .on('error', () => {
      isWrong = true;
    });
  const add = (words: string) => {
    const element = open.at(-1);
    if (element !== undefined) element.text += words;
  };
  parser.parse(text.replace(/^\uFEFF/, ''));
  return isWrong || open.length > 1 ? undefined : top;
}

/** Statements nest a dozen elements; deeper files are meant to harm. */
const DEEPEST = 200;

function plain(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
