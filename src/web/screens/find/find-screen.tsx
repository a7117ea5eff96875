import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function FindScreen(_props: ScreenProps) {
  return <Page title="Find">Being built.</Page>;
}
