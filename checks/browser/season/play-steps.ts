import type { Hand } from './hands.ts';
import { act } from './hands.ts';
import type { Step } from './season-acts.ts';

/** Does the steps of a season by one hand, with the device's clock at each step's own time. */
export async function playSteps(hand: Hand, steps: readonly Step[]): Promise<void> {
  for (const step of steps) {
    await hand.page.clock.setFixedTime(step.at);
    for (const one of step.acts) {
      try {
        await act(hand, one);
      } catch (error) {
        const words = `${step.about}\n${JSON.stringify(one)}\n${String(error)}`;
        throw new Error(words, { cause: error });
      }
    }
  }
}
