import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import type { Hono, MiddlewareHandler } from 'hono';

/** Built files whose names change with their content. */
const NEVER_CHANGES = /^\/assets\//;
/** Hidden files and source maps are not for the browser, even if a build left some. */
const NOT_SERVED = /(?:^|\/)\.|\.map$/;

/** Serves the built app; an address of a screen, which is no file, gets the app's first page. */
export function serveAppFiles(app: Hono, root: string): void {
  const firstPage = join(root, 'index.html');
  let files: MiddlewareHandler | undefined;
  app.get('*', async (context, next) => {
    const { path } = context.req;
    if (NOT_SERVED.test(path) || path.startsWith('/api/')) return context.notFound();
    if (!existsSync(firstPage)) {
      return context.text('The app is not built yet. Run: npm run build\n', 404);
    }
    await next();
    const keep = NEVER_CHANGES.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
    if (context.res.status === 200) context.res.headers.set('Cache-Control', keep);
    return undefined;
  });
  app.get('*', (context, next) => {
    files ??= serveStatic({ root, precompressed: true });
    return files(context, next);
  });
  app.get('*', async (context, next) => {
    if (/\.\w+$/.test(context.req.path)) return context.notFound();
    return serveStatic({ path: firstPage })(context, next);
  });
}
