# Multiple comparisons.
source("emit.R")
p_sets <- list(c(.01, .02, .03, .04), c(.01, .02, .03, .04, .05), c(.01, .04, .03, .005), c(.0001, .01, .03, .5), c(.02, .02, .5, 1))
for (i in seq_along(p_sets)) {
  emit(paste0("p.", i), p_sets[[i]])
  emit(paste0("holm.", i), p.adjust(p_sets[[i]], "holm"))
}
lower <- function(m) m[lower.tri(m, diag = TRUE)] # down the columns: 1-2, 1-3, 2-3 for three groups
# pairs of PlantGrowth by the distribution of Behrens and Fisher: errors of means as independent t's, each scaled
below <- function(d, u1, u2)
  integrate(function(z) dt(z, 9) * pt((d - u1 * z) / u2, 9), -Inf, Inf, rel.tol = 1e-11, abs.tol = 0, subdivisions = 2000)$value
groups <- split(PlantGrowth$weight, PlantGrowth$group)
se <- function(v) sd(v) / sqrt(length(v))
pair <- function(i, j) 2 * below(-abs(mean(groups[[i]]) - mean(groups[[j]])), se(groups[[i]]), se(groups[[j]]))
plant <- c(pair(2, 1), pair(3, 1), pair(3, 2))
emit("PlantGrowth.behrens.unadjusted", plant)
emit("PlantGrowth.behrens.holm", p.adjust(plant, "holm"))
ozone <- function(method) lower(pairwise.t.test(airquality$Ozone, airquality$Month, method)$p.value)
emit("airquality.unadjusted", ozone("none"))
emit("airquality.holm", ozone("holm"))
