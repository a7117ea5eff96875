import type { Context, MiddlewareHandler } from 'hono';
import { type Problem, problem } from './problem.ts';

/**
 * Keeps pages of other sites, and names that were pointed at this machine, away from the book:
 * only our own host names, and only requests that our own pages make.
 * Sources: OWASP Cross-Site Request Forgery Prevention Cheat Sheet (Fetch Metadata with Origin as
 * fallback), ASVS 5.0.0 chapter V3.
 */

const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "font-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
].join('; ');

const headers = {
  'Content-Security-Policy': CONTENT_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
} as const;

/** Puts the protecting headers on every answer, errors and files included. */
export const protect: MiddlewareHandler = async (context, next) => {
  await next();
  for (const [name, value] of Object.entries(headers)) context.res.headers.set(name, value);
  if (!context.res.headers.has('Cache-Control'))
    context.res.headers.set('Cache-Control', 'no-store');
};

/** What is wrong about where a request comes from; undefined when nothing is. */
export function foreignTo(context: Context, port: number): Problem | undefined {
  const host = context.req.header('host') ?? '';
  if (![`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`].includes(host)) {
    return problem(
      'foreign_host',
      'This address is not ours. Open the address that start printed.',
    );
  }
  const reads = context.req.method === 'GET' || context.req.method === 'HEAD';
  if (isFromOtherSite(context, host, reads)) {
    return problem('foreign_origin', 'Another site asked for this. Nothing was read or changed.');
  }
  return undefined;
}

function isFromOtherSite(context: Context, host: string, reads: boolean): boolean {
  const origin = context.req.header('origin');
  // Only our own pages may change anything, and a browser always names the page that does.
  if (origin === undefined ? !reads : origin !== `http://${host}`) return true;
  const site = context.req.header('sec-fetch-site');
  if (site === undefined || site === 'same-origin') return false;
  // `none` is the person themselves: the address bar, a bookmark.
  if (site === 'none') return !reads;
  // A link elsewhere may open the app, which shows nothing without its own requests.
  const opensApp =
    context.req.header('sec-fetch-mode') === 'navigate' &&
    context.req.header('sec-fetch-dest') === 'document' &&
    !context.req.path.startsWith('/api/');
  return !(reads && opensApp);
}
