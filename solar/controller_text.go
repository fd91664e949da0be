package solar

import "example.com/drawbar/units"

// MarshalText returns "MPPT" or "PWM", and empty text for the zero value; a
// value that is not defined is a [*units.RangeError].
func (k ControllerKind) MarshalText() ([]byte, error) {
	switch k {
	case 0:
		return []byte{}, nil
	case MPPT, PWM:
		return []byte(k.String()), nil
	}
	return nil, &units.RangeError{Op: "solar.ControllerKind.MarshalText", Field: "ControllerKind", Value: uint8(k), Allowed: allowed("MPPT or PWM")}
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *ControllerKind) UnmarshalText(text []byte) error {
	switch string(text) {
	case "":
		*k = 0
	case "MPPT":
		*k = MPPT
	case "PWM":
		*k = PWM
	default:
		return &units.ParseError{Input: string(text), Want: "a kind of controller", Reason: "want one of MPPT, PWM"}
	}
	return nil
}
