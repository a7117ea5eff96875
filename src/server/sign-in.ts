import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { done, refused } from '../base/outcome.ts';
import type { Handler } from './handlers.ts';
import { problem } from './problem.ts';
import type { Sessions } from './sessions.ts';

/** Cookies are shared by all ports of a host, so the port is part of the name. */
const cookieName = (port: number): string => `cratebook-${port}`;

/** Changes the one-time key for a cookie that scripts cannot read and other sites cannot send. */
export function signInHandler(sessions: Sessions, port: () => number): Handler {
  return async ({ context, body }) => {
    // The body was checked against its schema before it came here.
    const { key } = body as { readonly key: string };
    const token = sessions.start(key);
    if (token === undefined) {
      const message =
        'This address was used already or is out of date. ' +
        'Press Enter where Cratebook runs, and open the new address.';
      return refused(problem('key_not_valid', message));
    }
    // Without Secure: the server speaks plain HTTP, on loopback only.
    setCookie(context, cookieName(port()), token, {
      httpOnly: true,
      sameSite: 'Strict',
      path: '/api',
    });
    return done(context.json({ signedIn: true }));
  };
}

/** Ends the session of whoever asks, here and in the browser. */
export function signOutHandler(sessions: Sessions, port: () => number): Handler {
  return async ({ context }) => {
    const token = deleteCookie(context, cookieName(port()), { path: '/api' });
    if (token !== undefined) sessions.end(token);
    return done(context.json({ signedIn: false }));
  };
}

export function isSignedIn(context: Context, sessions: Sessions, port: number): boolean {
  const token = getCookie(context, cookieName(port));
  return token !== undefined && sessions.isRunning(token);
}
