import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { useBook } from '../book.ts';
import { HelpBeside } from '../help/help-beside.tsx';
import { SavedNotice } from './saved-notice.tsx';

/**
 * The frame of every screen: title (also the window's), an optional line above it, actions beside
 * it and the notice of what was just saved. Focus moves to the title when a page is reached.
 *
 *   <Page title="Families" above={<a href="/">Places</a>} actions={<PrintButton />}>…</Page>
 */
export function Page(props: {
  readonly title: string;
  /** A short way back, above the title. */
  readonly above?: ComponentChildren;
  /** One sentence that says what this page is for or what it adds up to. */
  readonly lead?: ComponentChildren;
  readonly actions?: ComponentChildren;
  /** Extra class for a page with columns of its own. */
  readonly layout?: string;
  readonly children: ComponentChildren;
}) {
  const book = useBook();
  useWindowTitle(props.title, book.name);
  return (
    <article class={`page ${props.layout ?? ''}`}>
      <header class="page-head">
        {props.above && <p class="page-above no-print">{props.above}</p>}
        <div class="page-title">
          <h1 tabIndex={-1}>{props.title}</h1>
          {props.actions && <div class="page-actions no-print">{props.actions}</div>}
        </div>
        {props.lead && <p class="page-lead">{props.lead}</p>}
      </header>
      <SavedNotice />
      <HelpBeside />
      {props.children}
    </article>
  );
}

/** The window's title: page, season, program. */
export function useWindowTitle(title: string, season?: string): void {
  useEffect(() => {
    document.title = [title, season, 'Cratebook'].filter(Boolean).join(' · ');
  }, [title, season]);
}
