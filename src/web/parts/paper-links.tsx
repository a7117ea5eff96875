import { routes } from '../../contract/api.ts';
import { useBook } from '../book.ts';
import { PrintButton } from './button.tsx';

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
  const to = routes.paper(address.group, address.season, props.paper, props.about);
  return (
    <span class="paper-links">
      {props.print && <PrintButton />}
      <span class="paper-word">{props.words}</span>
      <a href={`${to}?paper=a4`} download>
        PDF A4
      </a>
      <a href={`${to}?paper=letter`} download>
        PDF Letter
      </a>
    </span>
  );
}
