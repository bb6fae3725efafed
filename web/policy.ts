/** The content policy of the page: everything from where the page came from, nothing from anywhere else. */

const rules = (style: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    `style-src ${style}`,
    "connect-src 'self'",
    "worker-src 'self'",
    "img-src 'self' data: blob:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");

export const POLICY = rules("'self'");

/** While the page is written, its styles arrive inside scripts and are put in by them. */
export const POLICY_WHILE_WRITING = rules("'self' 'unsafe-inline'");

/** A worker takes its policy from the head of its own answer, so the server says it too. */
export const HEADERS = {
  "Content-Security-Policy": `${POLICY}; frame-ancestors 'none'`,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
};
