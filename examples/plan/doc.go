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
package plan
