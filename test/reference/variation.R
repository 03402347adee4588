# How clips and days vary, on `Pastes` of lme4 (strength of casks within batches; Davies and Goldsmith 1972): casks stand
# for clips, batches for days. The restricted likelihood of both sizes, from the normal density itself, and its maximum;
# where lme4 and nlme are installed, their fits have to agree with it.
source("emit.R")
pastes <- read.csv("data/pastes.csv")
n <- nrow(pastes)
batch <- outer(pastes$batch, pastes$batch, "==")
cask <- batch & outer(pastes$cask, pastes$cask, "==")
restricted <- function(caskSd, batchSd, residualSd) {
  V <- residualSd^2 * diag(n) + caskSd^2 * cask + batchSd^2 * batch
  W <- solve(V)
  r <- pastes$strength - sum(W %*% pastes$strength) / sum(W)
  as.numeric(-0.5 * (determinant(V)$modulus + log(sum(W)) + t(r) %*% W %*% r))
}
fit <- optim(log(c(2, 1, 1)), function(x) -restricted(exp(x[1]), exp(x[2]), exp(x[3])), control = list(reltol = 1e-14))
sds <- exp(fit$par) # casks, batches, residual
emit("sds", signif(sds, 4))
for (package in c("lme4", "nlme")) {
  if (!requireNamespace(package, quietly = TRUE)) next
  theirs <- if (package == "lme4") {
    as.data.frame(lme4::VarCorr(lme4::lmer(strength ~ 1 + (1 | batch) + (1 | batch:cask), pastes)))$sdcor
  } else {
    as.numeric(nlme::VarCorr(nlme::lme(strength ~ 1, random = ~ 1 | batch / cask, data = pastes))[c(4, 2, 5), "StdDev"])
  }
  stopifnot(all(abs(theirs / sds - 1) < 1e-3))
}
casks <- aggregate(strength ~ cask + batch, pastes, mean)
emit("casks.batch", as.integer(factor(casks$batch)))
emit("casks.mean", casks$strength)
sizes <- expand.grid(day = c(0, 0.06, 0.12, 0.25, 0.5, 1), clip = c(0.12, 0.25, 0.5, 1))
emit("frame", 6)
emit("residual", 0.8234)
emit("sizes.clip", sizes$clip)
emit("sizes.day", sizes$day)
emit("restricted", mapply(function(clip, day) restricted(6 * clip, 6 * day, 0.8234), sizes$clip, sizes$day))
