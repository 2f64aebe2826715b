"""A store that speaks S3 (moto), which checks every signature with botocore's code and keeps one bucket in memory."""

import json
import os
import re
import subprocess
import sys
import threading
from pathlib import Path

import boto3

from support.desk import PATIENCE_S, _die_with_parent

BUCKET = "photos"
RUNNING = re.compile(r"Running on (http://127\.0\.0\.1:\d+)")


class S3:
    """One store with the bucket `photos` and a key that may use it."""

    def __init__(self):
        # The first calls make the user and the bucket; from then on nothing goes without a signature and a right.
        env = {**os.environ, "INITIAL_NO_AUTH_ACTION_COUNT": "4"}
        words = [Path(sys.executable).with_name("moto_server"), "-p", "0"]
        self._process = subprocess.Popen(words, env=env, stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, text=True, preexec_fn=_die_with_parent)
        watch = threading.Timer(PATIENCE_S, self._process.kill)
        watch.start()
        said = ""
        for line in self._process.stderr:
            said += line
            if found := RUNNING.search(line):
                self.url = found[1]
                break
        else:
            raise AssertionError(said)
        watch.cancel()
        self._reader = threading.Thread(target=self._drain, daemon=True)
        self._reader.start()
        iam = self._client("iam", "none", "none")
        iam.create_user(UserName="office")
        key = iam.create_access_key(UserName="office")["AccessKey"]
        self.key, self.secret = key["AccessKeyId"], key["SecretAccessKey"]
        allowed = {"Effect": "Allow", "Action": "s3:*", "Resource": "*"}
        policy = json.dumps({"Version": "2012-10-17", "Statement": [allowed]})
        iam.put_user_policy(UserName="office", PolicyName="all", PolicyDocument=policy)
        self._client("s3", "none", "none").create_bucket(Bucket=BUCKET)

    def environment(self, url: str) -> dict[str, str]:
        """What an office is told of it, reached at `url`."""
        return {
            "AWS_ENDPOINT": url, "AWS_ALLOW_HTTP": "true", "AWS_REGION": "us-east-1",
            "AWS_ACCESS_KEY_ID": self.key, "AWS_SECRET_ACCESS_KEY": self.secret,
        }  # fmt: skip

    def objects(self) -> dict[str, bytes]:
        """All that the bucket has."""
        s3 = self._client("s3", self.key, self.secret)
        names = [o["Key"] for o in s3.list_objects_v2(Bucket=BUCKET).get("Contents", [])]
        return {name: s3.get_object(Bucket=BUCKET, Key=name)["Body"].read() for name in names}

    def stop(self) -> None:
        """Ends it; what it had is gone."""
        self._process.kill()
        self._process.wait()
        self._reader.join()

    def _drain(self) -> None:
        with self._process.stderr as stream:
            for _ in stream:
                pass

    def _client(self, service: str, key: str, secret: str):
        return boto3.client(service, endpoint_url=self.url, region_name="us-east-1", aws_access_key_id=key, aws_secret_access_key=secret)
