/** What a run counts for. `code` is the runner's exit code: a red run never counts as nothing failed. */
export function countsOfVitest(report, code) {
  return atLeastOneIfRed({ passed: report.numPassedTests, failed: report.numFailedTests }, code)
}

export function countsOfPlaywright(report, code) {
  const { expected, flaky, unexpected } = report.stats
  return atLeastOneIfRed({ passed: expected + flaky, failed: unexpected }, code)
}

/** A file that could not be loaded, or a run that found nothing, is a failure without a failed test. */
function atLeastOneIfRed({ passed, failed }, code) {
  const red = code !== 0 || passed + failed === 0
  return { passed, failed: red ? Math.max(failed, 1) : failed }
}

export function sum(counts) {
  return counts.reduce(
    (total, { passed, failed }) => ({ passed: total.passed + passed, failed: total.failed + failed }),
    {
      passed: 0,
      failed: 0,
    },
  )
}
