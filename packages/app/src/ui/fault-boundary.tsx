// A fault of ours in one sheet takes down that sheet alone: the project is still there, can be
// saved, and the sheet can be tried again.

import { Component, type ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
  /** Shown in place of what failed; `again` tries it once more. */
  readonly fallback: (fault: string, again: () => void) => ReactNode;
}

/** Holds a fault of what stands in it. */
export class FaultBoundary extends Component<Props, { readonly fault: string | null }> {
  override state = { fault: null };

  static getDerivedStateFromError(error: unknown): { fault: string } {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    return this.props.fallback(fault, () => this.setState({ fault: null }));
  }
}
