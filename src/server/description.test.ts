import { describe, expect, test } from 'vitest';
import { JSON_BODY_MAX_BYTES } from '../contract/limits.ts';
import { type Route, routeTable } from '../contract/route-table.ts';
import { recordSchemas } from '../records/schema.ts';
import { description } from './description.ts';
import { testServer } from './test-server.ts';

type Json = Record<string, unknown>;
const told = JSON.parse(JSON.stringify(description())) as {
  openapi: string;
  paths: Record<string, Record<string, Json>>;
  components: { schemas: Record<string, Json> };
};
const routes: readonly Route[] = Object.values(routeTable);

function refsIn(part: unknown): string[] {
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) =>
    key === '$ref' ? [String(value)] : refsIn(value),
  );
}

describe('the description (OpenAPI 3.1)', () => {
  test('names the routes of the table, all of them and no others', () => {
    const described = Object.entries(told.paths).flatMap(([path, operations]) =>
      Object.keys(operations).map((method) => `${method} ${path}`),
    );
    expect(described.sort()).toEqual(routes.map(({ method, path }) => `${method} ${path}`).sort());
    expect(told.openapi).toMatch(/^3\.1\./);
  });

  test('names no schema that is not there, and every schema of the book', () => {
    const refs = refsIn(told);
    expect(refs.length).toBeGreaterThan(40);
    for (const ref of refs) {
      const name = /^#\/components\/schemas\/([\w-]+)$/.exec(ref)?.[1] ?? ref;
      expect(told.components.schemas, ref).toHaveProperty([name]);
    }
    for (const kind of Object.keys(recordSchemas)) {
      expect(told.components.schemas).toHaveProperty([`record-${kind}`]);
    }
  });

  test('describes every part of a path', () => {
    for (const [path, operations] of Object.entries(told.paths)) {
      const inPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      for (const operation of Object.values(operations)) {
        const parameters = operation.parameters as { name: string; in: string }[];
        const named = parameters.filter((each) => each.in === 'path').map((each) => each.name);
        expect(named.sort()).toEqual(inPath.sort());
      }
    }
  });

  test('is what the server answers, and only with a session', async () => {
    const server = await testServer();
    expect((await server.get('/api/openapi.json')).json).toEqual(told);
    expect((await server.ask('GET', '/api/openapi.json')).status).toBe(401);
    await server.stop();
  });
});

describe('every route of the table', () => {
  const example = (path: string) =>
    path
      .replace('{group}', 'a')
      .replace('{season}', 'b')
      .replace(/\{\w+\}/g, 'statement');

  test('answers, and only to a session unless it makes one', async () => {
    const server = await testServer();
    const stranger = { origin: `http://127.0.0.1:${server.port}` };
    for (const route of routes) {
      const { status } = await server.ask(
        route.method.toUpperCase(),
        example(route.path),
        stranger,
      );
      // Without a session it is refused before its body is looked at.
      expect(status, route.path).toBe(route.who === 'session' ? 401 : 415);
    }
    await server.stop();
  });

  test('takes no body larger than it says', async () => {
    const server = await testServer();
    const large = JSON.stringify({ key: 'x'.repeat(JSON_BODY_MAX_BYTES) });
    for (const route of routes.filter((each) => each.body?.type === 'application/json')) {
      const answer = await server.post(example(route.path), large);
      expect(answer.status, route.path).toBe(413);
    }
    await server.stop();
  });
});
