package main

import "minim/equipment/benchfile"

// helps words what helps by the commands and options that do it, after the hint.
var helps = map[benchfile.Help]string{
	benchfile.NameKit:      ", or use --kit",
	benchfile.OtherKit:     "; or use --kit",
	benchfile.BeginRecord:  "minim new --record PREP --route NAME writes a record to fill in",
	benchfile.FollowRecord: ": minim made PREP RECORD",
}
