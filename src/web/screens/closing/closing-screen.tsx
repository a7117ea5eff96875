import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function ClosingScreen(_props: ScreenProps) {
  return <Page title="Closing list">Being built.</Page>;
}
