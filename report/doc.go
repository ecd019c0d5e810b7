// Package report words a finished comparison: as the first screen, and as
// JSON. It rounds, sorts and arranges; it works nothing out.
package report
