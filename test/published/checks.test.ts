import { describe, expect, it } from '@jest/globals';
import { runCheck } from '../../shared/checks/run-checks.js';
import { TOPIC_NAMES } from '../../shared/checks/topics.js';
import { fileChecks, referenceFolder } from '../../src/cli/file-checks.js';
import { loadChecks } from '../../src/reference/load-checks.js';
import { tables } from '../support/factories.js';

const checks = loadChecks(tables);

describe.each(TOPIC_NAMES)('checks of %s', (topic) => {
  it.each(checks[topic].map((row) => [row.what, row] as const))('%s', (_, row) => {
    const { ours, allowed, standing } = runCheck(topic, row, tables);
    // One that is explained lies beyond what is allowed, and one that is not lies within it.
    const expected = row.disagreement === undefined ? 'holds' : 'disagrees';
    expect({ ours, theirs: row.theirs, allowed, standing }).toMatchObject({ standing: expected });
  });
});

// A fresh clone has no such folder; the test command says that these are left out.
const folder = referenceFolder();
if (folder !== undefined) {
  describe('checks against files of data', () => {
    it.each(fileChecks(folder, tables).map((check) => [check.what, check] as const))(
      '%s',
      (_, { ours, theirs, allowed, standing, disagreement }) => {
        const expected = disagreement === undefined ? 'holds' : 'disagrees';
        expect({ ours, theirs, allowed, standing }).toMatchObject({ standing: expected });
      },
    );
  });
}
