/** Trusted Types (W3C), as far as they are needed here; not every browser has them. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL(address: string): string },
  ): { createScriptURL(address: string): string };
}

declare const trustedTypes: TrustedTypes | undefined;

/**
 * The address of a script that runs beside the page. The server's policy lets no text become one,
 * but for what the build itself made and named here.
 */
export function scriptAddress(address: string): string {
  if (typeof trustedTypes === 'undefined') return address;
  const policy = trustedTypes.createPolicy('cratebook-worker', { createScriptURL: () => address });
  return policy.createScriptURL(address);
}
