import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function RecordScreen(_props: ScreenProps) {
  return <Page title="Record">Being built.</Page>;
}
