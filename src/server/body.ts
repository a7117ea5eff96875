import type { Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { done, type Outcome, refused } from '../base/outcome.ts';
import { JSON_DEPTH_MAX } from '../contract/limits.ts';
import type { Route } from '../contract/route-table.ts';
import { examineJsonText } from '../intake/json-text.ts';
import { type Problem, problem } from './problem.ts';

type Body = NonNullable<Route['body']>;

/** Reads a request's body: its type and size are right, or it is refused. */
export async function bodyBytes(
  context: Context,
  body: Body,
): Promise<Outcome<Uint8Array, Problem>> {
  const type = context.req.header('content-type')?.split(';')[0]?.trim().toLowerCase();
  if (type !== body.type) {
    return refused(problem('wrong_content_type', `Send this as ${body.type}.`));
  }
  const bytes = await limitedBytes(context, body.bytesMax);
  if (bytes === undefined) {
    const most = `${body.bytesMax / 1024 / 1024} MiB`;
    return refused(problem('too_large', `This is more than ${most}. Send it in smaller parts.`));
  }
  return done(new Uint8Array(bytes));
}

async function limitedBytes(context: Context, bytesMax: number): Promise<ArrayBuffer | undefined> {
  let bytes: ArrayBuffer | undefined;
  const tooLarge = (): Response => new Response(null, { status: 413 });
  await bodyLimit({ maxSize: bytesMax, onError: tooLarge })(context, async () => {
    bytes = await context.req.arrayBuffer();
  });
  return bytes;
}

/** The value of a JSON text, from which parsing lost nothing, nested no deeper than the book is. */
export function jsonValue(bytes: Uint8Array): Outcome<unknown, Problem> {
  let text: string;
  let value: unknown;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    value = JSON.parse(text);
  } catch {
    return refused(problem('not_json', 'This is not JSON in UTF-8. Nothing was changed.'));
  }
  if (!isNestedAtMost(value, JSON_DEPTH_MAX)) {
    const message = `This is nested deeper than ${JSON_DEPTH_MAX} levels. Nothing was changed.`;
    return refused(problem('nested_too_deep', message));
  }
  const [fault] = examineJsonText(text).faults;
  if (fault === undefined) return done(value);
  const message = `${fault.field}: wanted ${fault.wanted}. Nothing was changed.`;
  return refused(problem('not_as_described', message));
}

function isNestedAtMost(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return levels > 0 && Object.values(value).every((part) => isNestedAtMost(part, levels - 1));
}
