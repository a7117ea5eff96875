import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { openApp, PHONE, WIDE } from '../checks/browser/harness.ts';

/** Takes the readme's pictures of the board from the demo season: `node tools/take-pictures.ts`. */
const docs = join(import.meta.dirname, '..', 'docs');
mkdirSync(docs, { recursive: true });
for (const [name, viewport] of [
  ['board', WIDE],
  ['board-phone', PHONE],
] as const) {
  const app = await openApp({ book: 'demo', viewport });
  await app.page.getByRole('heading', { name: 'Places' }).waitFor();
  await app.page.screenshot({ path: join(docs, `${name}.png`) });
  await app.close();
}
