/** A link as a part of a sentence: say.pieces`Go to ${link('/', say`the places`)}.` */
export function link(to: string, words: string) {
  return <a href={to}>{words}</a>;
}
