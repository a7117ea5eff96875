import { signal } from '@preact/signals';
import { Component, type ComponentChildren } from 'preact';
import { say } from '../say.ts';
import { Button } from './button.tsx';
import { Notice } from './notice.tsx';
import { useWindowTitle } from './page.tsx';

/**
 * What a person sees where the app itself has a fault. Around a part of the page it shows what to
 * do in its place; the rest of the page goes on. Saved records are not touched by any of this: they
 * are on the device before a screen says so.
 */
export class GoneWrong extends Component<
  { readonly children: ComponentChildren },
  { readonly fault?: unknown }
> {
  override state: { readonly fault?: unknown } = {};

  static override getDerivedStateFromError(fault: unknown) {
    return { fault };
  }

  override render() {
    const { fault } = this.state;
    if (fault === undefined) return this.props.children;
    return <StoppedPage fault={fault} />;
  }
}

function StoppedPage({ fault }: { readonly fault: unknown }) {
  const title = say`This page stopped working`;
  useWindowTitle(title);
  return (
    <article class="page">
      <header class="page-head">
        <h1 tabIndex={-1}>{title}</h1>
      </header>
      <WhatToDo fault={fault} />
    </article>
  );
}

function WhatToDo({ fault }: { readonly fault: unknown }) {
  return (
    <Notice tone="stop" title={say`All that was saved is safe. Load the app again.`}>
      <p>
        {say`What was typed here and not saved yet has to be typed again. If this page stops once
          more, go to another one and pass on the lines below to who looks after Cratebook.`}
      </p>
      <p class="button-row">
        <Button kind="main" onClick={() => location.reload()}>
          {say`Load it again`}
        </Button>
        {/* A plain visit, not a move within the app that has a fault. */}
        <a class="button button-plain" href="/" target="_self">
          {say`Places`}
        </a>
      </p>
      <details>
        <summary>{say`What went wrong, for who looks after Cratebook`}</summary>
        <p class="fault-text">{faultText(fault)}</p>
      </details>
    </Notice>
  );
}

function faultText(fault: unknown): string {
  return fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
}

/** A fault outside of drawing: in what a tap began, or while something was read. */
const faultBehind = signal<Error | undefined>(undefined);

/** Takes note of faults that no page shows by itself. */
export function watchFaults(): void {
  const note = (fault: unknown): void => {
    // A request that was given up, or a browser's own warning, is no fault of the app.
    if (fault instanceof Error && !(fault instanceof DOMException)) faultBehind.value = fault;
  };
  addEventListener('error', (event) => note(event.error));
  addEventListener('unhandledrejection', (event) => note(event.reason));
}

/** Says that something went wrong behind the page, until it is hidden or the app loaded again. */
export function FaultNotice() {
  const fault = faultBehind.value;
  if (fault === undefined) return null;
  return (
    <div role="alert" class="no-print">
      <WhatToDo fault={fault} />
      <Button quiet onClick={() => (faultBehind.value = undefined)}>
        {say`Hide`}
      </Button>
    </div>
  );
}
