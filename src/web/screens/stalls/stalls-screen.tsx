import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function StallsScreen(_props: ScreenProps) {
  return <Page title="Stalls">Being built.</Page>;
}
