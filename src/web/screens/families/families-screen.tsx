import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function FamiliesScreen(_props: ScreenProps) {
  return <Page title="Families">Being built.</Page>;
}
