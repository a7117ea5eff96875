import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useBook } from './book.ts';
import { MadeUpLine } from './help/made-up-line.tsx';
import { Shortcuts } from './line/line-entry.tsx';
import { address } from './navigation.ts';
import { ClosedLine } from './parts/closed-line.tsx';
import { FaultNotice, GoneWrong } from './parts/gone-wrong.tsx';
import { Languages } from './parts/languages.tsx';
import { link } from './parts/link.tsx';
import { Notice } from './parts/notice.tsx';
import { Page } from './parts/page.tsx';
import { PhoneLine } from './parts/phone-line.tsx';
import { routeAt, type Screen } from './routes.ts';
import { say } from './say.ts';

/**
 * What surrounds every screen of an open book: skip link, the head with the season and the main
 * pages, the page itself, and on a phone the thumb bar with the four verbs.
 */
export function Frame(props: { readonly damage: readonly string[]; readonly onShelf: () => void }) {
  const book = useBook();
  return (
    <div class="frame">
      <a class="skip" href="#page">
        {say`Skip to the page`}
      </a>
      <header class="head no-print">
        <a class="mark" href="/">
          Cratebook
        </a>
        <button
          type="button"
          class="head-season"
          aria-label={say`${book.name} all books`}
          onClick={props.onShelf}
        >
          <span class="head-name">{book.name}</span>{' '}
          <span class="head-switch">{say`all books`}</span>
        </button>
        <Pages />
      </header>
      <MadeUpLine />
      <PhoneLine />
      <ClosedLine />
      <div class="at-hand">
        <Verbs />
        <Shortcuts />
      </div>
      <main id="page" tabIndex={-1}>
        {props.damage.length > 0 && (
          <Notice tone="stop" title={say`The store is damaged, so nothing is written to it.`}>
            <ul>
              {props.damage.map((name) => (
                <li key={name}>{name}</li>
              ))}
            </ul>
            <p>{say`Stop here and restore the newest backup with ./cratebook restore.`}</p>
          </Notice>
        )}
        <FaultNotice />
        <Current />
      </main>
      <footer class="foot no-print">
        <a class="jump" href="/words">
          {say`Word list`}
        </a>
        <Languages />
      </footer>
    </div>
  );
}

const PAGES = [
  ['/', say`Places`],
  ['/families', say`Families`],
  ['/stalls', say`Stalls`],
  ['/find', say`Find`],
  ['/add', say.as('verb')`Record`],
  ['/closing', say`Closing list`],
  ['/set-up', say`Set-up`],
] as const;

function Pages() {
  const { path } = address.value;
  const open = useSignal(false);
  // A page that was reached closes the menu that led to it.
  useEffect(() => {
    open.value = false;
  }, [path]);
  return (
    <>
      <button
        type="button"
        class="menu-button"
        aria-expanded={open.value}
        aria-controls="pages"
        onClick={() => {
          open.value = !open.value;
        }}
      >
        {say`Menu`}
      </button>
      <nav class="pages" id="pages" data-open={open.value ? 'yes' : 'no'} aria-label={say`Pages`}>
        <ul>
          {PAGES.map(([to, words]) => (
            <li key={to}>
              <a href={to} aria-current={isWithin(path, to) ? 'page' : undefined}>
                {words}
              </a>
            </li>
          ))}
        </ul>
      </nav>
    </>
  );
}

function isWithin(path: string, page: string): boolean {
  if (page === '/') return path === '/' || path.startsWith('/places/');
  return path === page || path.startsWith(`${page}/`);
}

const VERBS = [
  ['/add/handover', say`Goods out`],
  ['/add/return', say.as('short')`Goods back`],
  ['/add/payment', say`Payment`],
  ['/count', say.as('short')`Count`],
] as const;

/** The four things done most, at the thumb on a phone, in a row under the head when it is wide. */
function Verbs() {
  const { path } = address.value;
  return (
    <nav class="verbs no-print" aria-label={say.as('verb')`Record`}>
      {VERBS.map(([to, words]) => (
        <a key={to} href={to} aria-current={path === to ? 'page' : undefined}>
          {words}
        </a>
      ))}
    </nav>
  );
}

interface Shown {
  readonly path: string;
  readonly screen: Screen;
  readonly params: Readonly<Record<string, string>>;
}

/** The screen at the address; while its chunk comes, the one before stays. */
function Current() {
  const { path, search } = address.value;
  const shown = useSignal<Shown | 'missing' | 'not loaded' | undefined>(shownAtOnce(path));
  const first = useRef(true);
  const drawn = useRef<ComponentChildren>(undefined);
  useEffect(() => {
    const found = routeAt(path);
    if (found === undefined) {
      shown.value = 'missing';
      return undefined;
    }
    let stale = false;
    found.load().then(
      (screen) => {
        if (!stale && pathOf(shown.value) !== path)
          shown.value = { path, screen, params: found.params };
      },
      () => {
        if (!stale) shown.value = 'not loaded';
      },
    );
    return () => {
      stale = true;
    };
  }, [path, shown]);
  const now = shown.value;
  const shownPath = pathOf(now);
  useEffect(() => {
    if (shownPath === undefined) return;
    if (!first.current) focusTitle();
    first.current = false;
  }, [shownPath]);
  if (now === undefined) return <p class="loading">{say`Opening the page…`}</p>;
  if (now === 'missing') {
    return (
      <Page title={say`There is no page here`}>
        <p>
          {say.pieces`Go to ${link('/', say`the places`)}, or
            ${link('/find', say`find a record`)}.`}
        </p>
      </Page>
    );
  }
  if (now === 'not loaded') {
    return (
      <Page title={say`This page could not be loaded`}>
        <p>
          {say`There is no connection, or a newer version of Cratebook is there.`}{' '}
          <a href={path} target="_self">
            {say`Load it again`}
          </a>
        </p>
      </Page>
    );
  }
  // The page before is not drawn anew while the next one comes: a tap is answered at once.
  if (now.path === path) {
    drawn.current = (
      <GoneWrong key={now.path}>
        <now.screen params={now.params} search={search} />
      </GoneWrong>
    );
  }
  return drawn.current;
}

/** The first screen is drawn with its frame where it came in time; a later one after the tap. */
function shownAtOnce(path: string): Shown | undefined {
  const { here, params } = routeAt(path) ?? {};
  return here && params && { path, screen: here, params };
}

function pathOf(shown: Shown | string | undefined): string | undefined {
  return typeof shown === 'object' ? shown.path : shown;
}

function focusTitle(): void {
  scrollTo(0, 0);
  document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true });
}
