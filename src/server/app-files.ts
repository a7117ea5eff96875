import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import type { Hono } from 'hono';

/** Built files whose names change with their content. */
const NEVER_CHANGES = /^\/assets\//;
/** Hidden files and source maps are not for the browser, even if a build left some. */
const NOT_SERVED = /(?:^|\/)\.|\.map$/;

/** Serves the built app; an address of a screen, which is no file, gets the app's first page. */
export function serveAppFiles(app: Hono, root: string): void {
  app.get('*', async (context, next) => {
    const { path } = context.req;
    if (NOT_SERVED.test(path) || path.startsWith('/api/')) return context.notFound();
    await next();
    const keep = NEVER_CHANGES.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
    if (context.res.status === 200) context.res.headers.set('Cache-Control', keep);
    return undefined;
  });
  app.get('*', serveStatic({ root, precompressed: true }));
  app.get('*', async (context, next) => {
    if (/\.\w+$/.test(context.req.path)) return context.notFound();
    const page = join(root, 'index.html');
    if (!existsSync(page)) {
      return context.text('The app is not built yet. Run: npm run build', 404);
    }
    return serveStatic({ path: page })(context, next);
  });
}
