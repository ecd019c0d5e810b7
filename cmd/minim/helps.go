package main

import "minim/equipment/benchfile"

// helps words what helps by the commands and options that do it, after the hint.
var helps = map[benchfile.Help]hinted{
	benchfile.NameKit:      {hint: ", or use --kit"},
	benchfile.OtherKit:     {hint: "; or use --kit"},
	benchfile.BeginRecord:  {hint: "minim new --record PREP --route NAME writes a record to fill in"},
	benchfile.FollowRecord: {hint: ": minim made PREP RECORD"},
}
