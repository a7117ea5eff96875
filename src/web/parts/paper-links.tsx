import { routes } from '../../contract/api.ts';
import { useBook } from '../book.ts';
import { madeUpOpen } from '../help/made-up-open.ts';
import { say } from '../say.ts';
import { PrintButton } from './button.tsx';

const PAPER_SIZES = [
  ['a4', 'A4'],
  ['letter', say`Letter`],
] as const;

/** Print this page, or fetch the tagged PDF for A4 or Letter paper. */
export function PaperLinks(props: {
  readonly paper: string;
  /** The family, record or stall the paper is about. */
  readonly about?: string;
  /** What the paper is called, like "Statement". */
  readonly words: string;
  readonly print?: boolean;
}) {
  const { address } = useBook();
  // The server knows nothing of the made-up book, so it has no papers.
  if (madeUpOpen.value !== undefined) return null;
  const to = routes.paper(address.group, address.season, props.paper, props.about);
  return (
    <span class="paper-links">
      {props.print && <PrintButton />}
      <span class="paper-word">{say`${props.words} PDF`}</span>
      {PAPER_SIZES.map(([size, words]) => (
        <a
          key={size}
          href={`${to}?paper=${size}`}
          download
          aria-label={say`${props.words} PDF, ${words}`}
        >
          {words}
        </a>
      ))}
    </span>
  );
}
