import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';

export function SetUpScreen(_props: ScreenProps) {
  return <Page title="Set-up">Being built.</Page>;
}
