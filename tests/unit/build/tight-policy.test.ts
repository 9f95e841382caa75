/** The policy of a page keeps the hashes of its own inline text. Expected hash: SHA-256 of "1" in base64 (FIPS 180-4; computed with a shell tool). */
import { expect, test } from 'vitest';
import { withTightPolicy } from '../../../src/build/steps/tight-policy.ts';

const OF_1 = "'sha256-a4ayc/80/OGda4BO/1o/V0etpOqiLx1JwB5S3beHW0s='";
const page = (policy: string): string => `<html><head><meta http-equiv="content-security-policy" content="${policy}"><script>1</script></head></html>`;

test('hashes of other pages go, one\'s own and every other word stay', () => {
  expect(withTightPolicy(page(`default-src 'none';script-src 'self' 'sha256-AAAA=' ${OF_1} 'sha256-BBBB=';`))).toBe(page(`default-src 'none';script-src 'self' ${OF_1};`));
});

test('a page without a policy is left as it is', () => {
  expect(withTightPolicy('<html><head><script>1</script></head></html>')).toBe('<html><head><script>1</script></head></html>');
});
