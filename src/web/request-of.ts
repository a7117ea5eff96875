const ANSWER_WITHIN_MS = 30_000;

/** How the app asks its server: a body makes it a POST. */
export function requestOf(body?: unknown): RequestInit {
  return {
    ...(body === undefined
      ? { headers: { accept: 'application/json' } }
      : {
          method: 'POST',
          headers: { accept: 'application/json', 'content-type': 'application/json' },
          body: JSON.stringify(body),
        }),
    // What hangs is given up: what was sent waits in the outbox and is sent again.
    signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
    credentials: 'same-origin',
  };
}
