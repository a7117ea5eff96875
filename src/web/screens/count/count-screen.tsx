import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function CountScreen(_props: ScreenProps) {
  return <Page title="Count">Being built.</Page>;
}
