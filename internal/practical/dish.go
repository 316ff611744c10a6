package practical

// Dish is one dish of the menu: its recipe, its steps, how it is served.
type Dish struct {
	Letter      string       `json:"letter" yaml:"letter"` // A to Z, its own on the page
	Name        string       `json:"name" yaml:"name"`
	Portions    int          `json:"portions,omitempty" yaml:"portions"`
	Recipe      string       `json:"recipe,omitempty" yaml:"recipe"` // file with the recipe's text, in place of steps
	Text        string       `json:"text,omitempty" yaml:"text"`     // the recipe's text as it was pasted, kept whole
	Ingredients []Ingredient `json:"ingredients,omitempty" yaml:"ingredients"`
	Allergens   []string     `json:"allergens,omitempty" yaml:"allergens"`
	Steps       []Step       `json:"steps,omitempty" yaml:"steps"`
	Serve       Serve        `json:"serve" yaml:"serve"`
}

// Ingredient is a line of the recipe's list, as written, and what was read in it.
type Ingredient struct {
	Raw       string  `json:"raw" yaml:"raw"`
	Quantity  float64 `json:"quantity,omitempty" yaml:"quantity"`
	Most      float64 `json:"most,omitempty" yaml:"most"` // of a range; 0: none
	Unit      string  `json:"unit,omitempty" yaml:"unit"`
	Name      string  `json:"name,omitempty" yaml:"name"`
	Note      string  `json:"note,omitempty" yaml:"note"`
	Component string  `json:"component,omitempty" yaml:"component"`
}

// Serve is how a dish goes to the table. It is a row of its own.
type Serve struct {
	Heat    Heat   `json:"heat" yaml:"heat"`
	How     string `json:"how" yaml:"how"`                 // how it is presented
	Minutes int    `json:"minutes" yaml:"minutes"`         // hands minutes to plate and garnish
	Within  int    `json:"within,omitempty" yaml:"within"` // served at most so many minutes after its last step; 0: no limit
}

// Heat is how a dish is served.
type Heat string

// The heats. Cold dishes are served first, hot ones last.
const (
	Hot  Heat = "hot"
	Cold Heat = "cold"
	AsIs Heat = "as-is"
)
