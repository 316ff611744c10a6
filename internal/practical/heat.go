package practical

// GasMark is one row of a heat table: a gas mark with the figures that go with it.
type GasMark struct {
	Mark       string `json:"mark" yaml:"mark"`             // "1/4" to "9"
	Celsius    int    `json:"celsius" yaml:"celsius"`       // oven without fan
	Fan        int    `json:"fan" yaml:"fan"`               // fan oven, degrees Celsius
	Fahrenheit int    `json:"fahrenheit" yaml:"fahrenheit"` // oven without fan
}
