import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function EditScreen(_props: ScreenProps) {
  return <Page title="Edit">Being built.</Page>;
}
