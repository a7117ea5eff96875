import { signal } from '@preact/signals';

/**
 * The address as state. Plain links work: clicks on `<a href="/…">` of our own are caught here and
 * turned into moves without a reload. `go('/records/ID')` moves from code.
 */
export const address = signal(currentAddress());

export interface Address {
  readonly path: string;
  readonly search: URLSearchParams;
}

function currentAddress(): Address {
  return { path: location.pathname, search: new URLSearchParams(location.search) };
}

export function go(to: string, replace = false): void {
  if (replace) history.replaceState(null, '', to);
  else history.pushState(null, '', to);
  address.value = currentAddress();
}

/** Starts listening to links and to the browser's own back and forward. */
export function watchAddress(): void {
  addEventListener('popstate', () => {
    address.value = currentAddress();
  });
  document.addEventListener('click', (event) => {
    const to = ownLink(event);
    if (to === undefined) return;
    event.preventDefault();
    go(to);
  });
}

function ownLink(event: MouseEvent): string | undefined {
  const plain = event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey);
  if (!plain || event.defaultPrevented || !(event.target instanceof Element)) return undefined;
  const link = event.target.closest('a');
  if (link === null || link.target !== '' || link.hasAttribute('download')) return undefined;
  const url = new URL(link.href);
  const ours = url.origin === location.origin && !url.pathname.startsWith('/api/');
  // A link within the page, like the skip link, stays the browser's.
  if (!ours || link.getAttribute('href')?.startsWith('#')) return undefined;
  return `${url.pathname}${url.search}`;
}
