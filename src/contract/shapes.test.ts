import type Type from 'typebox';
import { describe, expect, expectTypeOf, test } from 'vitest';
import type * as api from './api.ts';
import { routes } from './api.ts';
import { routeTable } from './route-table.ts';
import type { namedShapes } from './shapes.ts';

/** What a schema says, as a type; the compiler fails this file where the two ways part. */
type Said<Name extends keyof typeof namedShapes> = Type.Static<(typeof namedShapes)[Name]>;

/** The app's types are read-only, the schemas' are not; that difference does not count. */
type Loose<T> = T extends readonly (infer Part)[]
  ? Loose<Part>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Loose<T[Key]> }
    : T;

describe('schemas and types say the same', () => {
  test('of requests', () => {
    expectTypeOf<Said<'NewBook'>>().toEqualTypeOf<Loose<api.NewBook>>();
    expectTypeOf<Said<'AppendRequest'>>().toExtend<api.AppendRequest>();
    expectTypeOf<Loose<api.AppendRequest>>().toExtend<Loose<Said<'AppendRequest'>>>();
  });
  test('of answers', () => {
    expectTypeOf<Said<'BooksAnswer'>>().toExtend<api.BooksAnswer>();
    expectTypeOf<Loose<api.BooksAnswer>>().toExtend<Loose<Said<'BooksAnswer'>>>();
    expectTypeOf<Said<'AppendAnswer'>>().toEqualTypeOf<Loose<api.AppendAnswer>>();
    expectTypeOf<Said<'RecordsAnswer'>>().toExtend<api.RecordsAnswer>();
    expectTypeOf<Loose<api.RecordsAnswer>>().toExtend<Loose<Said<'RecordsAnswer'>>>();
    expectTypeOf<Said<'ErrorAnswer'>>().toEqualTypeOf<Loose<api.ErrorAnswer>>();
  });
});

test('the addresses the app asks are those of the table', () => {
  const asked = [
    routes.session,
    routes.sessionEnd,
    routes.books,
    routes.records('{group}', '{season}'),
    routes.file('{group}', '{season}'),
    routes.paper('{group}', '{season}', '{paper}'),
    routes.paper('{group}', '{season}', '{paper}', '{about}'),
    routes.description,
  ];
  const served = Object.values(routeTable).map((route) => route.path);
  expect(asked.sort()).toEqual([...new Set<string>(served)].sort());
});
