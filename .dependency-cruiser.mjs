import { readFileSync } from 'node:fs';

/** The arrows between rooms come from the table in ARCHITECTURE.md, so the page cannot go stale. */
const rows = readFileSync(new URL('ARCHITECTURE.md', import.meta.url), 'utf8').matchAll(
  /^\| `src\/(\w+)` *\|[^|]*\|([^|]*)\|$/gm,
);
const rooms = [...rows].map(([, room, may]) => ({
  room,
  may: may
    .split(',')
    .map((name) => name.trim())
    .filter(Boolean),
}));
if (rooms.length < 10) throw new Error('ARCHITECTURE.md: the table of rooms was not found');

const arrows = rooms.map(({ room, may }) => ({
  name: `${room}-imports-only-${may.join('-') || 'itself'}`,
  severity: 'error',
  from: { path: `^src/${room}/`, pathNot: '\\.test\\.tsx?$' },
  to: { path: '^src/', pathNot: `^src/(?:${[room, ...may].join('|')})/` },
}));

const CORE = '^src/(?:base|solvers|records|intake|journal|ledger|rules|questions|statements)/';

// biome-ignore lint/style/noDefaultExport: the tool reads its settings from the default export
export default {
  forbidden: [
    ...arrows,
    {
      name: 'no-cycles',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'core-reads-no-machine',
      severity: 'error',
      from: { path: CORE, pathNot: '\\.(?:test|suite)\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'only-storage-knows-sql',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/storage/' },
      to: { path: '^node:sqlite$' },
    },
  ],
  options: {
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(?:node_modules|dist)/' },
  },
};
