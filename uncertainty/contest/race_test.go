//go:build race

package contest_test

const raceDetector = true
