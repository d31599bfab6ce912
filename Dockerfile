# Give the full names of the official .NET images in your registry: docker build --build-arg SDK_IMAGE=... --build-arg RUNTIME_IMAGE=... .
ARG SDK_IMAGE=dotnet/sdk:10.0
ARG RUNTIME_IMAGE=dotnet/aspnet:10.0

FROM ${SDK_IMAGE} AS build
WORKDIR /build
COPY global.json Directory.Build.props Directory.Packages.props BannedSymbols.txt .editorconfig ./
COPY src ./src
# Compiled for the machine beforehand, so that it begins faster: both images must be of one architecture and one C library.
RUN dotnet publish src/GddWatch/GddWatch.csproj -c Release --use-current-runtime --self-contained false -p:PublishReadyToRun=true -o /app --nologo

FROM ${RUNTIME_IMAGE}
# No font is installed: the one that charts are drawn with lies inside the program.
# The service needs no rights: it reads its configuration and writes to one volume.
RUN useradd --system --uid 10001 --no-create-home --shell /usr/sbin/nologin gddwatch \
    && mkdir --mode=700 /var/lib/gddwatch && chown gddwatch /var/lib/gddwatch
WORKDIR /gddwatch
COPY --from=build /app /usr/lib/gddwatch
COPY config ./config
COPY data-samples/*.csv ./data-samples/
USER gddwatch
VOLUME /var/lib/gddwatch
# Runs with a read-only root file system too: nothing is written but into the volume, neither a debugger's socket nor what a large sorting needs.
ENV DOTNET_EnableDiagnostics=0 SQLITE_TMPDIR=/var/lib/gddwatch Health__Port=8080
HEALTHCHECK --interval=1m --timeout=10s --start-period=5m CMD ["dotnet", "/usr/lib/gddwatch/gddwatch.dll", "health", "--config", "/gddwatch/config"]
ENTRYPOINT ["dotnet", "/usr/lib/gddwatch/gddwatch.dll"]
CMD ["watch", "--config", "/gddwatch/config", "--data", "/var/lib/gddwatch"]
