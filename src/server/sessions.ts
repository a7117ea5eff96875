import { createHash, timingSafeEqual } from 'node:crypto';

/**
 * Who may use the server until people can sign in: whoever holds the one-time key that start
 * printed. A key is changed once for a session; of both only SHA-256 hashes are kept, in memory.
 * Secrets have 256 random bits (ASVS 5.0.0, 11.5.1 asks for 128).
 */
const SECRET_BYTES = 32;
const IDLE_MS = 12 * 3_600_000;
const LONGEST_MS = 7 * 24 * 3_600_000;
const SESSIONS_MAX = 20;

export interface SessionParts {
  /** Milliseconds that never run backwards. */
  now(): number;
  random(bytes: number): Uint8Array;
}

interface Session {
  readonly startedMs: number;
  usedMs: number;
}

export class Sessions {
  readonly #parts: SessionParts;
  #keyHash: Buffer | undefined;
  /** By the hash of their token, in the order they were started. */
  readonly #sessions = new Map<string, Session>();

  constructor(parts: SessionParts) {
    this.#parts = parts;
  }

  /** A new one-time key; one that was not used yet is dead from now on. */
  newKey(): string {
    const key = this.#secret();
    this.#keyHash = hash(key);
    return key;
  }

  /** A session's token for the key, once; undefined where the key is not, or no longer, good. */
  start(key: string): string | undefined {
    if (this.#keyHash === undefined || !timingSafeEqual(this.#keyHash, hash(key))) return undefined;
    this.#keyHash = undefined;
    const token = this.#secret();
    const now = this.#parts.now();
    this.#sessions.set(hash(token).toString('hex'), { startedMs: now, usedMs: now });
    const [oldest] = this.#sessions.keys();
    if (this.#sessions.size > SESSIONS_MAX && oldest !== undefined) this.#sessions.delete(oldest);
    return token;
  }

  /** True for the token of a session that still runs; using it keeps it from going idle. */
  isRunning(token: string): boolean {
    const name = hash(token).toString('hex');
    const session = this.#sessions.get(name);
    if (session === undefined) return false;
    const now = this.#parts.now();
    if (now - session.usedMs > IDLE_MS || now - session.startedMs > LONGEST_MS) {
      this.#sessions.delete(name);
      return false;
    }
    session.usedMs = now;
    return true;
  }

  /** Ends the session of a token, where there is one. */
  end(token: string): void {
    this.#sessions.delete(hash(token).toString('hex'));
  }

  #secret(): string {
    return Buffer.from(this.#parts.random(SECRET_BYTES)).toString('base64url');
  }
}

function hash(secret: string): Buffer {
  return createHash('sha256').update(secret).digest();
}
