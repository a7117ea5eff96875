import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function ProductsScreen(_props: ScreenProps) {
  return <Page title="Products">Being built.</Page>;
}
