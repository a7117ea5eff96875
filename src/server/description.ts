import Type, { type TSchema } from 'typebox';
import { type Route, routeTable } from '../contract/route-table.ts';
import { namedShapes } from '../contract/shapes.ts';
import { recordSchemas } from '../records/schema.ts';

/**
 * The server's description (OpenAPI 3.1, whose schemas are JSON Schema 2020-12), made from the
 * table of routes and the schemas that also check the requests, so it cannot tell another story.
 */
type Json = Readonly<Record<string, unknown>>;

const ref = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });

export function description(): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const [name, route] of Object.entries(routeTable)) {
    paths[route.path] = { ...paths[route.path], [route.method]: operation(name, route) };
  }
  return {
    openapi: '3.1.1',
    info: {
      title: 'Cratebook',
      version: '1',
      description: 'Money in minor units of the season’s currency, goods in whole units.',
    },
    paths,
    components: {
      schemas: schemas(),
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: 'cratebook' } },
    },
  };
}

function operation(name: string, route: Route): Json {
  const statuses = [400, 401, 403, 405, 500, ...route.errors].sort((a, b) => a - b);
  const problems = statuses.map((status) => [
    String(status),
    { description: 'Refused', content: { 'application/json': { schema: ref('ErrorAnswer') } } },
  ]);
  const { answer, body } = route;
  return {
    operationId: name,
    summary: route.summary,
    security: route.who === 'session' ? [{ session: [] }] : [],
    parameters: [...parameters(route.inPath, 'path'), ...parameters(route.inQuery, 'query')],
    ...(body && { requestBody: { required: true, content: content(body.type, body.shape) } }),
    responses: {
      [answer.status]: { description: 'Done', content: content(answer.type, answer.shape) },
      ...Object.fromEntries(problems),
    },
  };
}

function content(type: string, shape: string | undefined): Json {
  if (shape !== undefined) return { [type]: { schema: ref(shape) } };
  return { [type]: { schema: type === 'application/json' ? { type: 'object' } : {} } };
}

function parameters(shape: Route['inPath'], where: 'path' | 'query'): Json[] {
  return Object.entries(shape.properties).map(([name, schema]) => ({
    name,
    in: where,
    required: where === 'path',
    schema: described(schema),
  }));
}

function schemas(): Json {
  const kinds = Object.keys(recordSchemas).map((kind) => Type.Ref(recordName(kind)));
  const all: [string, TSchema][] = [
    ...Object.entries(namedShapes),
    ['BookRecord', Type.Union(kinds)],
    ...Object.entries(recordSchemas).map(([kind, schema]): [string, TSchema] => [
      recordName(kind),
      schema,
    ]),
  ];
  return Object.fromEntries(all.map(([name, schema]) => [name, described(schema)]));
}

function recordName(kind: string): string {
  return `record-${kind}`;
}

/** A schema as plain JSON: what is wanted becomes its description, names become addresses. */
function described(schema: TSchema): Json {
  const plain = JSON.stringify(schema, (key, part: unknown) =>
    key === '$ref' ? `#/components/schemas/${part}` : part,
  );
  return JSON.parse(plain, (_key, part: unknown) => {
    if (!isPlain(part) || typeof part.wanted !== 'string') return part;
    const { wanted, ...rest } = part;
    return { ...rest, description: wanted };
  });
}

function isPlain(part: unknown): part is Record<string, unknown> {
  return typeof part === 'object' && part !== null && !Array.isArray(part);
}
