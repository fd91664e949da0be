package solar_test

import (
	"errors"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// TestControllerKindText: what is written reads back, and nothing else does.
func TestControllerKindText(t *testing.T) {
	for _, k := range []solar.ControllerKind{0, solar.MPPT, solar.PWM} {
		text, err := k.MarshalText()
		back := solar.ControllerKind(9)
		if err != nil || back.UnmarshalText(text) != nil || back != k {
			t.Errorf("%v: %q reads back as %v, %v", k, text, back, err)
		}
	}
	if _, err := solar.ControllerKind(3).MarshalText(); !errors.Is(err, units.ErrRange) {
		t.Errorf("a kind that is not defined: %v", err)
	}
	k := solar.PWM
	if err := k.UnmarshalText([]byte("mppt")); !errors.Is(err, units.ErrSyntax) || k != solar.PWM {
		t.Errorf("other text: %v, %v", k, err)
	}
}
