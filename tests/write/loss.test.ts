import { describe, expect, it } from 'vitest';
import type { Loss } from '../../src/model/layout-source.js';
import { LossTally } from '../../src/write/loss.js';

describe('LossTally', () => {
  it('adds up what is alike, keeps apart what is not, and leaves out nothing times', () => {
    const tally = new LossTally();
    tally.add('holes/note', 'no column', false);
    tally.add('holes/note', 'too long', false);
    tally.add('holes/note', 'no column', false, 4);
    tally.add('groups', 'no column', true, 0);
    const losses: Loss[] = [];
    tally.report((loss) => losses.push(loss));
    expect(losses).toEqual([
      { field: 'holes/note', count: 5, reason: 'no column', recoverable: false },
      { field: 'holes/note', count: 1, reason: 'too long', recoverable: false },
    ]);
  });
});
