// Package report words a result: as a page of blocks, which becomes text, Markdown or HTML,
// as JSON and as CSV. It rounds, sorts and arranges; it works nothing out.
package report
