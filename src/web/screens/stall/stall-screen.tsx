import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function StallScreen(_props: ScreenProps) {
  return <Page title="Stall">Being built.</Page>;
}
