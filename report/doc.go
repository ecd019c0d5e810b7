// Package report words a finished comparison: as the first screen, as
// Markdown, as JSON and as CSV. It rounds, sorts and arranges; it works nothing out.
package report
