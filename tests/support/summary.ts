import type { Reporter, TestModule } from 'vitest/node';

/** Closes a run with one plain line, 'N passed, N failed, N skipped', that a machine can read. */
export default class Summary implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const count = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state !== 'pending') count[state] += 1;
      }
      if (
        module.state() === 'failed' &&
        ![...module.children.allTests()].some((t) => t.result().state === 'failed')
      )
        count.failed += 1;
    }
    console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
  }
}
