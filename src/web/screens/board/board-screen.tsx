import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function BoardScreen(_props: ScreenProps) {
  return <Page title="Places">Being built.</Page>;
}
