import { Component, type ReactNode } from 'react';
import { Button, Notice } from '../ui/index.ts';

interface State {
  thrown: Error | undefined;
}

/** Keeps a screen that breaks from taking the window with it. */
export class ScreenBoundary extends Component<{ children: ReactNode }, State> {
  override state: State = { thrown: undefined };

  static getDerivedStateFromError(thrown: Error): State {
    return { thrown };
  }

  override render(): ReactNode {
    const { thrown } = this.state;
    if (!thrown) return this.props.children;
    return (
      <Notice
        tone="stop"
        title="This screen could not be shown."
        live
        action={<Button onClick={() => this.setState({ thrown: undefined })}>Show it again</Button>}
      >
        What was saved is safe. The browser says: {thrown.message}
      </Notice>
    );
  }
}
