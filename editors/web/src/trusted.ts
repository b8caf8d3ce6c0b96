/**
 * The page's policy lets no text become markup or script (`require-trusted-types-for`); the addresses of its own two
 * workers are the only exception.
 */

const OWN = new Set(["worker.js", "sw.js"]);

interface Policies {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): unknown };
}

const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;
const policy = policies?.createPolicy("tenter-workers", {
  createScriptURL(url) {
    if (!OWN.has(url)) throw new TypeError(`not one of the page's own workers: ${url}`);
    return url;
  },
});

/** The address of one of the page's own workers. */
export function trustedUrl(name: "worker.js" | "sw.js"): string {
  return (policy ? policy.createScriptURL(name) : name) as string;
}
