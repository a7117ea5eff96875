import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function FamilyScreen(_props: ScreenProps) {
  return <Page title="Family">Being built.</Page>;
}
