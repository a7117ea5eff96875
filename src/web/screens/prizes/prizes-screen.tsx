import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function PrizesScreen(_props: ScreenProps) {
  return <Page title="Prize steps">Being built.</Page>;
}
