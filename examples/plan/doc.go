// Package plan turns the description of a rig into a power plan: what the
// loads use, what each source can carry, how long the bank lasts, what the sun
// brings, whether each circuit's conductor and protection suit it, and what
// needs attention, worst first, each with its rule and a way to mend it.
//
//	rig, err := plan.Read(data) // JSON, strict: every mistake is reported
//	if err != nil {
//		log.Fatal(err)
//	}
//	p, err := plan.Make(rig)
//	if err != nil {
//		log.Fatal(err)
//	}
//	fmt.Print(p.Text())
//
// It composes the calculators and adds no physics of its own. Nothing is
// assumed in place of what the description leaves out: that is a finding.
//
// A plan is arithmetic on what was put in, not an inspection. Local codes and
// a licensed electrician come first.
//
// # The plan in JSON
//
// [Plan.JSON] has the names below. They stay; what is added later is added
// beside them. Every quantity is text with its unit, "7.2 V", of six
// significant digits at most and always in the unit named here. Where a name stands for a list, it is always there, and empty if there
// is nothing; what is marked ? is left out where it does not apply or was not
// given. Nothing is null. Counts are the only bare numbers.
//
//	"rig" "day"       as described
//	"demo"            true if the rig is invented
//	"loads"           "name" "bus" "power" W, "energy" Wh a day, "must_not_stop"
//	"buses"           "name" "voltage" V, "energy" Wh, "charge"? Ah, "average" W,
//	                  "peak" W, "apparent"? VA, "current" A
//	"use"             of a day, from the bank: "direct" "inverted" "idle" "energy"
//	                  "loop_energy" Wh, "idle_stated" true or false, "charge" Ah,
//	                  "average" "must_not_stop" "unattended" "loop" W, "gap_hours"? "gap_hours_by_charge"? h
//	"bank"            "name" "usable" Wh, "charge" Ah; hours to empty: "at_average"?
//	                  "at_must_not_stop"? "at_unattended"?
//	                  "at_average_with_loop"? "at_must_not_stop_with_loop"?
//	                  "at_unattended_with_loop"?; "must_not_stop_with_sun"? d
//	"sun"?            "harvest" Wh, "share" %, "panels" "series" "strings" counts,
//	                  "peak" W, "coldest" °C, "cold_open_circuit" "open_circuit" V,
//	                  "short_circuit" "required" A, "controller": "kind"
//	                  "input_limit" V, "output_limit" "offered" A
//	"sources"         "name" "power" "continuous" W, "surge"? VA, "numbers",
//	                  "guard"? of a generator
//	"inverter"?       "current" "required" A, "largest" a load, "power_left" W,
//	                  "apparent_left" VA
//	"sets" "runs"     too much, and not too much, together: "on" a source,
//	                  "rule" "loads" "numbers", "any" of like loads: "count" "of"
//	"circuits"        "name" "route" "size" "current" A, "drop" V, "fraction" "path" %,
//	                  "at_load"? V, "device": "stated" "needed" "rating"? A, "at"?
//	                  "distance"? m, "interrupting"? "least" A; "limit"? "fault"? A,
//	                  "rules" "table"? a source, "governs"? "insulation" "terminals"?
//	                  "ambient"? °C, "bundled" a count, "worst" a severity;
//	                  "checks": "name" "found"? "limit"? "verdict"
//	"findings"        "part" "route"? "severity" "rule" "message" "numbers" "mend"
//	                  "source"
//	"cautions"        sentences
//	"working"         only of [Plan.JSONWithWorking]: "part" "title" "steps": "kind"
//	                  "symbol"? "what" "value"? "formula"? "with" "holds"? "chosen"?
//	                  "why"? "looked_up"? "source"?
//
// "numbers" and "with" are lists of "name" "value". A source is "body"? "title"?
// "edition"? "place"? and "provenance". A severity is "note", "caution" or
// "danger", and a verdict one of those of [working.Verdict]: it says which check
// a number passed, and nothing about the rest of the installation.
package plan
