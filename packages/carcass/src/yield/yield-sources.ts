/** Sources of yields, their spread, servings and freezers. */
export const yieldSources = {
  'own-sides': 'Learned from the sides that the shop has weighed itself (docs/yields.md).',
  'herd-2011-length':
    'Frontiers in Genetics 2:18 (2011), table 1: carcass length 787 mm, standard deviation 25, at 81.8 kg. It holds the spread of weight too.',
  'herd-2011-fit':
    'Fitted to the coefficients of variation of the herd of 2011 (derived): they are of weights, so they hold the spread of carcass weight too, which the copy seen does not print; the fit errs on the cautious side.',
  'spread-assumed': 'No source prints a spread: one like that of the measured cuts is assumed (practice).',
  'dressing-bands':
    'Dressing of hogs as printed, widest: skinned and headless 63 % (ATTRA), all still in the carcass 80 % (University of Guelph); five points allowed on either side.',
  'cooler-loss':
    'Cooler loss of the hot weight: 1.5 % (swine evaluation slides), 1.96 % (USDA grade text before 1985), 1.5 to 4 %, average 2.5 % in 48 h (University of California, 1918). The range is read as 95 % of carcasses (derived).',
  'hanging-met':
    'Hanging weights met on public pages: 96 lb (lard breed) to 255 lb, research herds 75 to 131 kg; rounded outward (derived).',
  'skin-share':
    'Skin on a ham 1.2 of 22.5 lb and on a picnic 0.6 of 8.3 lb, as the species data split the published lines (derived).',
  'slides-typical':
    'Teaching slides on swine evaluation: last-rib fat 0.40 to 1.40 in, mean 0.80, at a mean carcass of 180 lb. The breakdown of the National Pork Producers Council prints no fat depth; this one is taken for it.',
  'slides-lean':
    'Teaching slides on pork grading: fat-free lean, lb = 8.588 + 0.465 HCW - 21.896 BF10 + 3.005 LMA. At 184 lb, 0.90 in and 5.5 sq in it is 49.44 % (derived).',
  'slides-georgia':
    'University of Georgia, pork carcass grading slides: rounded lean equations, unribbed 23.7 + 0.5 HCW - 21.3 LRBF.',
  'usda-grades':
    'USDA pork carcass grades: four times last-rib fat in inches less the muscle score; thin carcasses are never No. 1, and nothing is below 1 (AMS standard, South Dakota State University).',
  'cutout-fat-class':
    'Canadian cut-out of 3 807 carcasses: each 5 mm of fat takes 0.89 points of the four lean cuts and 0.50 of all trimmed product, so 0.39 go to the belly and 0.50 to fat (derived).',
  'meta-2017':
    'Translational Animal Science 1:77 (2017), tables 2 and 4: lean 55.8 to 50.9 % took 0.8 points of lean cuts and 1.5 of all cuts; masses and shares of three weight classes.',
  'between-herds':
    'Six cuts as shares of the side in the herd of 2011 and in the middle weight class of the 2017 meta-summary differ by 14 % (root mean square of the logarithms); over the root of two this is 10 % a herd (derived).',
  'between-rib-counts':
    'Mean ribs 15.5 (Piétrain cross) and 14.83 (Duroc cross, Frontiers in Genetics 2:18, 2011): 4.4 % apart, over the root of two 3.1 % a herd (derived).',
  'servings-chart':
    'National Pork Board purchasing chart: servings a pound by cut, from 1.25 (spareribs) to 6 (bacon).',
  'freezer-reports':
    'Freezers as reported: 20 lb a cubic foot (club page), 25.9 (116.7 lb filled 4.5 cu ft, farm page), 35 to 40 lb (extension rule, from memory).',
  'cool-boxes':
    'Cool boxes as one farm page asks its customers to bring them: 100 qt (94.6 l) a half hog, 225 qt a whole one.',
  'tape-2016':
    'A hog of 300 lb was taped at 276 lb (farm page, 2016); ten percent either way is read as two standard deviations (derived).',
  'usda-bulletin':
    'USDA farmers’ bulletin, Pork: Slaughtering, Cutting, Preserving, and Cooking on the Farm, table 1: U.S. No. 2 hog, percent of the carcass. Gave a check.',
  leaflet:
    'Extension leaflet, Pork Processing Options for Consumers (publisher not seen): percent of the carcass of a leaner hog. Gave a check.',
  washington:
    'Washington State Department of Agriculture, processing percentage charts: 215 lb live, 150 lb carcass, half of 75 lb. Gave a check.',
  'half-127': 'Weighed list of one half of 127.5 lb (farm page, 2017). Gave a check.',
  'half-48': 'Weighed list of one half of 48 lb of a lard breed (farm page). Gave a check.',
  'carcass-167':
    'Weighed list of a carcass of 167 lb: 116.7 lb boxed in 4.5 cubic feet (farm page). Gave a check.',
  'half-143': 'A half of 143.5 lb gave 98 lb of usual cuts (farm page). Gave a check.',
  'carcass-212':
    'A carcass of 212 lb gave 190.09 lb, nearly all sliced, without feet and bones (farm page, 2016). Gave a check.',
  'course-90': 'A pig of 90 kg live dressed just under 65 kg (pig-keeping course). Gave a check.',
  'half-100': 'What to expect of a half of 100 lb (custom processor). Gave a check.',
  'half-90': 'One half, the usual carcass being 180 lb (farm page, 2006). Gave a check.',
  'kentucky-dressing':
    'University of Kentucky Cooperative Extension ASC-179, How Much Meat to Expect from a Carcass: dressing of pigs, skin on, 70 to 73 %, shorn sheep 50 to 53, goats 45 to 50, grain-fed beef 60 to 63. The bands allow ten points more either way.',
  'cooler-assumed': 'No source for this species: the cooler loss of hogs is taken (practice).',
  'tennessee-goat':
    'University of Tennessee, meat goat fabrication slides: 70 lb live, 48 %, 33.6 lb; the cooler takes 3 to 10 %, average 5. The range is read as 95 % of carcasses (derived).',
  'fore-of-live':
    'Dressing of grain-fed beef, 60 to 63 % (University of Kentucky ASC-179), times the fore quarters’ 51.7 % of a side (140 of 271 lb, Washington State Department of Agriculture): 31.8 % (derived). Other sources part the side at 52 or 55 %.',
  'purdue-beef':
    'Purdue University, freezer beef sheet: 1 to 2 % in the cooler in 48 hours, 4 to 6 % by 14 days. The first range is read as 95 % of carcasses (derived).',
} as const;
