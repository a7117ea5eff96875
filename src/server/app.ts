import { type Context, Hono } from 'hono';
import { compress } from 'hono/compress';
import type { TProperties, TSchema } from 'typebox';
import Type from 'typebox';
import { Check, Errors } from 'typebox/value';
import { done, type Outcome, refused } from '../base/outcome.ts';
import { APPEND_MAX_RECORDS } from '../contract/limits.ts';
import { type Route, type RouteName, routeTable } from '../contract/route-table.ts';
import { namedShapes } from '../contract/shapes.ts';
import type { Finding } from '../intake/finding.ts';
import { serveAppFiles } from './app-files.ts';
import { bodyBytes, jsonValue } from './body.ts';
import { foreignTo, protect } from './guard.ts';
import { type Asked, type Handler, handlers, type ServerParts } from './handlers.ts';
import { type Problem, problem } from './problem.ts';
import { isSignedIn, signInHandler, signOutHandler } from './sign-in.ts';

/**
 * The server: a request goes through the guard, the session, the checks of the table of routes and
 * one handler; whatever goes wrong on the way leaves through one funnel.
 */
export interface AppParts extends ServerParts {
  /** The port that listens; known once it does. */
  readonly port: () => number;
  /** The folder of the built app. */
  readonly appFiles: string;
  /** Where a bug is told, with the reference number the person was given. */
  readonly reportBug: (reference: string, bug: unknown) => void;
  readonly newReference: () => string;
}

export function createApp(parts: AppParts): Hono {
  const app = new Hono();
  app.onError((bug, context) => {
    const reference = parts.newReference();
    parts.reportBug(reference, bug);
    const message = `Something went wrong in the program. Note this number for help: ${reference}`;
    return send(context, problem('program_error', message, { reference }));
  });
  app.notFound((context) => send(context, problem('no_such_address', 'There is nothing here.')));
  app.use(protect);
  // A season of 5,000 records is a megabyte of text, and a tenth of that packed.
  app.use('/api/*', compress({ encoding: 'gzip' }));
  app.use(async (context, next) => {
    const foreign = foreignTo(context, parts.port());
    if (foreign !== undefined) return send(context, foreign);
    return next();
  });
  addRoutes(app, parts);
  refuseOtherMethods(app);
  serveAppFiles(app, parts.appFiles);
  return app;
}

function send(context: Context, { status, answer }: Problem): Response {
  return context.json(answer, status);
}

function addRoutes(app: Hono, parts: AppParts): void {
  const byName = handlers(parts, {
    signIn: signInHandler(parts.sessions, parts.port),
    signOut: signOutHandler(parts.sessions, parts.port),
  });
  for (const [name, route] of routeEntries()) {
    app.on(route.method.toUpperCase(), honoPath(route.path), async (context) => {
      const answered = await answerTo(context, route, byName[name], parts);
      return answered.ok ? answered.value : send(context, answered.refusal);
    });
  }
}

function routeEntries(): [RouteName, Route][] {
  // Object.entries knows the keys of an object literal only as text.
  return Object.entries(routeTable) as [RouteName, Route][];
}

/** `{name}` is `:name` in Hono; a file name's ending stays outside of the name. */
function honoPath(path: string): string {
  return path.replace(/\{(\w+)\}\.pdf$/, ':$1{[A-Za-z0-9-]+\\.pdf}').replace(/\{(\w+)\}/g, ':$1');
}

async function answerTo(
  context: Context,
  route: Route,
  handle: Handler,
  parts: AppParts,
): Promise<Outcome<Response, Problem>> {
  if (route.who === 'session' && !isSignedIn(context, parts.sessions, parts.port())) {
    const message = 'Open the address that Cratebook printed, or press Enter there for a new one.';
    return refused(problem('not_signed_in', message));
  }
  const asked = await checked(context, route);
  return asked.ok ? handle(asked.value) : asked;
}

/** The request's parts, each fitting its schema in the table of routes. */
async function checked(context: Context, route: Route): Promise<Outcome<Asked, Problem>> {
  const path = Object.fromEntries(
    Object.entries(context.req.param()).map(([name, text]) => [name, text.replace(/\.pdf$/, '')]),
  );
  if (!Check(route.inPath, path)) {
    return refused(problem('no_such_address', 'There is nothing here.'));
  }
  const query = context.req.query();
  const repeated = Object.values(context.req.queries()).some((values) => values.length > 1);
  const misfit = misfits(route.inQuery, query);
  if (repeated || misfit.length > 0) return refused(notAsDescribed(misfit));
  if (route.body === undefined) return done({ context, path, query, body: undefined });
  const bytes = await bodyBytes(context, route.body);
  if (!bytes.ok) return bytes;
  if (route.body.shape === undefined) return done({ context, path, query, body: bytes.value });
  const body = jsonValue(bytes.value);
  if (!body.ok) return body;
  const wrong = bodyProblem(namedShapes[route.body.shape], body.value);
  return wrong === undefined ? done({ context, path, query, body: body.value }) : refused(wrong);
}

function bodyProblem(shape: TSchema, body: unknown): Problem | undefined {
  if (isTooManyRecords(body)) {
    const message = `At most ${APPEND_MAX_RECORDS} records at a time. Send them in smaller parts.`;
    return problem('too_many_records', message);
  }
  const misfit = misfits(shape, body);
  return misfit.length === 0 ? undefined : notAsDescribed(misfit);
}

function isTooManyRecords(body: unknown): boolean {
  return (
    typeof body === 'object' &&
    body !== null &&
    'records' in body &&
    Array.isArray(body.records) &&
    body.records.length > APPEND_MAX_RECORDS
  );
}

/** Records within a request are read by intake, one by one, with better words than a schema's. */
const readByIntake: TProperties = { BookRecord: Type.Unknown() };

function misfits(shape: TSchema, value: unknown): Finding[] {
  if (Check(readByIntake, shape, value)) return [];
  return Errors(readByIntake, shape, value).map((error) => ({
    line: 1,
    field: error.instancePath.slice(1).replaceAll('/', '.'),
    said: '',
    wanted: error.message,
    severity: 'error',
  }));
}

function notAsDescribed(findings: readonly Finding[]): Problem {
  const field = findings[0]?.field || 'the request';
  const message = `${field} is not as described in /api/openapi.json. Nothing was changed.`;
  return problem('not_as_described', message, { findings });
}

/** A known address asked in another way (TRACE, PUT, a preflight…) is refused, not passed on. */
function refuseOtherMethods(app: Hono): void {
  const allowed = new Map<string, string[]>();
  for (const [, { path, method }] of routeEntries()) {
    const reads = method === 'get' ? ['GET', 'HEAD'] : ['POST'];
    allowed.set(path, [...(allowed.get(path) ?? []), ...reads]);
  }
  const refuse = (context: Context, methods: readonly string[]): Response => {
    context.header('Allow', methods.join(', '));
    return send(context, problem('method_not_allowed', 'This address cannot be asked that way.'));
  };
  for (const [path, methods] of allowed) {
    app.all(honoPath(path), (context) => refuse(context, methods));
  }
  app.all('*', async (context, next) => {
    if (['GET', 'HEAD'].includes(context.req.method)) return next();
    return refuse(context, ['GET', 'HEAD']);
  });
}
